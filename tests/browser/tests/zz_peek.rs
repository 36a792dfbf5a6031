use coldsump_browser::{Light, Phone, Server};
#[tokio::test]
async fn peek() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.goto(&server.url()).await;
    tokio::time::sleep(std::time::Duration::from_secs(4)).await;
    println!("{:?}", phone.problems(&server.origin()).await);
    println!("{}", phone.js("return document.body.innerHTML.slice(0,3000)").await);
}
