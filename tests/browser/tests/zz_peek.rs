use coldsump_browser::{Light, Phone, Server};
#[tokio::test]
async fn peek() {
    let server = Server::start();
    let phone = Phone::open(Light::Day).await;
    phone.goto(&server.url()).await;
    phone.mounted().await;
    phone.tap("open-demo").await;
    phone.tap("to-refill").await;
    phone.tap("begin-test").await;
    tokio::time::sleep(std::time::Duration::from_secs(3)).await;
    println!("{:?}", phone.problems(&server.origin()).await);
    phone.shot("peek").await;
    println!(
        "{}",
        phone
            .js("return location.href + document.body.innerText.slice(0,3000)")
            .await
    );
}
